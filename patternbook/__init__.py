"""patternbook: one pattern source, checked in every size, becomes a printable booklet."""

__version__ = "0.1.0"
