"""What is checked: trade advice with a source, one file a check under `rules`.

Takes: facts about a room or the job, with where each was written. Gives: findings, the texts that
explain them, the reference page. Deliberately does not: read text, lay anything out, keep results, choose what to show.
"""
