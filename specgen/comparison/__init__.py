"""What differs between two specifications, as facts and then as a judgement on each."""
