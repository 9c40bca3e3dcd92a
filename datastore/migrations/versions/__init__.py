"""The steps, oldest first; a step that has been released is never edited."""
