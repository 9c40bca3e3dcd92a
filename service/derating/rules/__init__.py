"""Published derating rule sets, one a file."""
