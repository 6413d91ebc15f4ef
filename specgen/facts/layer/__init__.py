"""One coat: its film, its intervals, its wet film."""
