// Starts `roomspec serve` for the room files of a window, and shows what it gives.
import { commands, languages, window, workspace } from "vscode";
import type { ExtensionContext } from "vscode";
import { provideHover } from "./hover";
import { runAndShow } from "./results";
import { makeServer, ROOMS } from "./server";
import type { Server } from "./server";
import { snippetsAtLineStart } from "./snippets";

let server: Server | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const log = window.createOutputChannel("roomspec", { log: true });
  const made = (server = makeServer(context, log, { executeCommand: runAndShow(context), provideHover }));
  context.subscriptions.push(
    log,
    languages.registerCompletionItemProvider(ROOMS, snippetsAtLineStart),
    commands.registerCommand("roomspec.restart", () => made.restart()),
    commands.registerCommand("roomspec.log", () => log.show()),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("roomspec.command")) void made.restart();
    }),
    workspace.onDidGrantWorkspaceTrust(() => void made.restart()),
  );
  await made.restart();
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
