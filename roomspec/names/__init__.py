"""What each name of a job's files means, and where it is used.

Takes: the trees of the job's files. Gives: definitions by kind, repeated rooms by name, problems of names with the
nearest names offered.
Deliberately does not: read values, or look at files.
"""
