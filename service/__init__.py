"""Switchbank: what a battery pack's switches can really do, with every number's place on its datasheet."""
