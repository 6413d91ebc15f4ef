"""Materials: what may go on each of them, and in what state."""
