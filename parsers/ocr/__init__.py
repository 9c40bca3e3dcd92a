"""Reading pages that are pictures: two readings at different scales, and only what both see counts as seen."""
