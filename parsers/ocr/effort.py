"""How much is looked at, and how closely."""

MOST_PAGES = 20
"""Of a document of pictures no more pages are read; processor time is given for as many. [1]"""
FIRST_PX, SECOND_PX = 2300, 1750
"""Longer side of the page in the two readings: 200 and 150 dots an inch of a sheet of A4. [1]"""
