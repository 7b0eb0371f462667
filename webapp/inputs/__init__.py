"""The one table of what a person enters, a file for each place where it is entered."""
