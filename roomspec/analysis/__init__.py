"""The one place that runs the stages: a World of files in, a Snapshot of a job out.

Takes: a World (files, the date) and a job's path. Gives: the model, findings placed in their files, the estimate.
Deliberately does not: touch the disk (a World does), print anything.
"""
