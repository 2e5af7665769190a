// What is said when there is no server, and what can be done about it.
import { commands, env, Uri, window } from "vscode";

interface Way {
  readonly title: string;
  readonly command: string;
  readonly argument?: unknown;
}

const AGAIN: Way = { title: "Try again", command: "roomspec.restart" };
const LOG: Way = { title: "Show the log", command: "roomspec.log" };
// A program's place belongs to the machine that it runs on.
const SETTING: Way = {
  title: "Set the command",
  command: env.remoteName === undefined ? "workbench.action.openSettings" : "workbench.action.openRemoteSettings",
  argument: { query: "roomspec.command" },
};

/** The packed README tells how to install roomspec. */
const howTo = (extension: Uri): Way => ({
  title: "How to install",
  command: "markdown.showPreview",
  argument: Uri.joinPath(extension, "readme.md"),
});

export function sayNotFound(extension: Uri, python: boolean): void {
  const what = python
    ? "roomspec was found neither on the PATH nor in a .venv of this folder; it checks the room files."
    : "Neither roomspec, which checks the room files, nor the Python 3.11 or newer that it needs was found.";
  say(what, howTo(extension), SETTING, AGAIN);
}

export function sayDoesNotRun(command: string, reason: string): void {
  say(`roomspec does not run: ${command}: ${reason}`, SETTING, LOG, AGAIN);
}

export function sayKeepsEnding(times: number, minutes: number): void {
  say(`The roomspec server has ended ${times} times within ${minutes} minutes and is not started again.`, LOG, AGAIN);
}

function say(what: string, ...ways: Way[]): void {
  void window.showErrorMessage(what, ...ways).then((way) => {
    if (way !== undefined) void commands.executeCommand(way.command, way.argument);
  });
}
