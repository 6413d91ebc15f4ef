"""Job specifications for protective coatings: checked, computed and printed from small YAML sources."""

__version__ = "0.1.0"
