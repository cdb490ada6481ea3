"""Proofs of titles, certificates and vaccination: attached by owners, ticked off by the office."""
