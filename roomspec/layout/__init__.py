"""The model laid out: pieces on each wall.

Takes: a room of the model and the job's laying terms. Gives: `laid.RoomLayout`.
Deliberately does not: read text, choose how panels are cut, count what is bought.
"""
