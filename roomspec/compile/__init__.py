"""The tree with its names resolved, as a job of the model.

Takes: `names.index.Names`. Gives: `job.Compiled`: the model's Job, the problems found on the way, and the origin of
each fact. Each stage (a statement, a product, a method, a room) is memoised by its content, so that an edit redoes what
it touches and no more.
Deliberately does not: give trade advice (`checks`), or compute a figure.
"""
