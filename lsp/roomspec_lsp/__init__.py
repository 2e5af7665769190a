"""The language server: what editors ask about room files, answered from the analysis.

Takes: messages of the Language Server Protocol, open buffers. Gives: findings while typing, mends, completion, hover
and the rest. Deliberately does not: know the language itself (`roomspec` does), write files, reach the network.
"""
