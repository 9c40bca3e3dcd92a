"""What the use cases ask of the database, one subject a file."""
