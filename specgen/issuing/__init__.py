"""From a checked folder to an approved and issued revision."""
