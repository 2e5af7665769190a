"""The disk: the World of a repository on it. The only package beside `cli` that does IO.

Gives: `disk.DiskWorld`, `revision.RevisionWorld` (one commit, through git), the repository's root, the jobs of a
folder, writing that is whole or not at all.
Deliberately does not: read outside the repository, follow links that lead out of it.
"""
