"""What meets what: coats on coats, coats on old paint, paint on a part."""
