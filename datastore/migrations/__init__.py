"""How the schema came to be, one step a file; run by datastore.migrate."""
