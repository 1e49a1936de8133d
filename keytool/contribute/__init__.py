"""Contribute: add to the library without breaking it, see what a change does, and take in photographs."""
