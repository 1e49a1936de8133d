"""Identify what lives in a drop of soil: the library, the keys and everything made from them."""

__version__ = "0.1.0"
