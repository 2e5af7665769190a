"""The command `roomspec`: one file a command, all trouble turned into one line and an exit code in `main`.

Takes: arguments, standard input. Gives: reports on standard output, trouble on standard error, exit codes.
Deliberately does not: decide what is wrong with a job, or how a figure is made.
"""
