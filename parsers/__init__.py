"""Reading datasheets: from a PDF's bytes to readings that know their place and the evidence for them."""
