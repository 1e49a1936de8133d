"""Lets `python -m keytool.cli` do what `wetmount` does."""

from keytool.cli import main

main(prog_name="wetmount")
