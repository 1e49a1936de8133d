"""The numbers of the bench: lengths, volumes, counts, biomass and what they allow to be said.

Pure functions; every name says its unit. Constants and thresholds are handed in: they stand in `keydata/bench/` with
their basis, and `sensitivity.vary` says how much a result moves when they do.
"""
