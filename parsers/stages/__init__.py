"""The reading pipeline's steps, one a file, each from one type to the next."""
