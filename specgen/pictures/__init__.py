"""Pictures of the author, made fit for a page: bounded, stripped of what a page does not show, written anew."""
