// Shows what the server's own commands give: texts in a tab as wide as they need, drawings beside the room file.
import { EventEmitter, ProgressLocation, Uri, ViewColumn, window, workspace } from "vscode";
import type { ExtensionContext, WebviewPanel } from "vscode";
import type { Middleware } from "vscode-languageclient/node";
import { drawingsPage } from "./drawings_page";
import type { Drawing } from "./drawings_page";

const SCHEME = "roomspec";
const NAMES: Readonly<Record<string, string>> = {
  "roomspec.estimate": "Estimate",
  "roomspec.order": "Order",
  "roomspec.drawings": "Drawings",
};

/** Stands between every command of the server and whoever called it: a lens gives a file, the palette does not. */
export function runAndShow(context: ExtensionContext): NonNullable<Middleware["executeCommand"]> {
  const showText = texts(context);
  const showDrawings = drawings();
  return async (command, args, next) => {
    const name = NAMES[command];
    const file = fileOf(args[0]);
    if (file === undefined) return void window.showInformationMessage("Open a room file of the job first.");
    // What the server's other commands give is shown by the server itself.
    if (name === undefined) return next(command, [file, ...args.slice(1)]) as unknown;
    const work = { location: ProgressLocation.Window, title: `roomspec: ${name.toLowerCase()}` };
    const result: unknown = await window.withProgress(work, async () => next(command, [file, ...args.slice(1)]));
    if (result === null) void window.showInformationMessage("The job changed meanwhile: please ask again.");
    else if (typeof result === "string") await showText(name, result);
    else if (command === "roomspec.drawings") showDrawings(result as Drawing[]);
  };
}

function fileOf(argument: unknown): string | undefined {
  if (typeof argument === "string") return argument;
  if (argument instanceof Uri) return argument.toString();
  const document = window.activeTextEditor?.document;
  return document?.languageId === "roomspec" ? document.uri.toString() : undefined;
}

/** Read-only documents; one that is shown again shows what is new. */
function texts(context: ExtensionContext): (name: string, text: string) => Promise<void> {
  const kept = new Map<string, string>();
  const changed = new EventEmitter<Uri>();
  const provider = {
    onDidChange: changed.event,
    provideTextDocumentContent: (uri: Uri) => kept.get(uri.toString()) ?? "",
  };
  context.subscriptions.push(changed, workspace.registerTextDocumentContentProvider(SCHEME, provider));
  return async (name, text) => {
    const uri = Uri.from({ scheme: SCHEME, path: name });
    kept.set(uri.toString(), text);
    changed.fire(uri);
    await window.showTextDocument(uri, { preview: false });
  };
}

function drawings(): (made: readonly Drawing[]) => void {
  let panel: WebviewPanel | undefined;
  return (made) => {
    if (panel === undefined) {
      const where = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      panel = window.createWebviewPanel("roomspec.drawings", "Drawings", where, { enableFindWidget: true });
      panel.onDidDispose(() => (panel = undefined));
    }
    panel.webview.html = drawingsPage(made);
    panel.reveal(undefined, true);
  };
}
