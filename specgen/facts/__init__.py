"""What is in force, and what rests on what: one answer for rules, comparison and pages."""
