"""Tables, one subject a file."""
