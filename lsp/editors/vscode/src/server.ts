// The server's life: found, asked for its version, started, started again when it ends, and given up when it keeps ending.
import { commands, languages, LanguageStatusSeverity, workspace } from "vscode";
import type { ExtensionContext, LanguageStatusItem, LogOutputChannel } from "vscode";
import { CloseAction, ErrorAction, LanguageClient, State } from "vscode-languageclient/node";
import type { CloseHandlerResult, LanguageClientOptions, Middleware } from "vscode-languageclient/node";
import { findProgram, pythonIsThere, versionOf } from "./program";
import type { Program } from "./program";
import { sayDoesNotRun, sayKeepsEnding, sayNotFound } from "./trouble";

export const ROOMS = [
  { scheme: "file", language: "roomspec" },
  { scheme: "untitled", language: "roomspec" },
];
const ENDS = 4;
const MINUTES = 3;

export interface Server {
  /** Ends the one that runs, and looks for the program anew. */
  restart(): Promise<void>;
  stop(): Promise<void>;
}

export function makeServer(context: ExtensionContext, log: LogOutputChannel, run: Middleware["executeCommand"]): Server {
  const status = statusItem(context);
  let client: LanguageClient | undefined;
  let last: Promise<void> = Promise.resolve();

  async function start(): Promise<void> {
    show(status, "starting", LanguageStatusSeverity.Information, true);
    const folders = (workspace.workspaceFolders ?? []).map((folder) => folder.uri.fsPath);
    const setting = workspace.getConfiguration("roomspec").get<string[]>("command", []);
    const program = findProgram(setting, workspace.isTrusted ? folders : []);
    if (program === undefined) {
      log.error("roomspec was not found");
      show(status, "not found", LanguageStatusSeverity.Error);
      return sayNotFound(context.extension.id, pythonIsThere());
    }
    log.info(`starting ${[program.command, ...program.args, "serve"].join(" ")}`);
    try {
      const version = await versionOf(program, folders[0]);
      client = makeClient(program, folders[0], log, run);
      client.onDidChangeState(({ newState }) => {
        const runs = newState === State.Running;
        void commands.executeCommand("setContext", "roomspec.serving", runs);
        if (runs) show(status, version, LanguageStatusSeverity.Information);
        else show(status, "not running", LanguageStatusSeverity.Error);
      });
      await client.start();
    } catch (error) {
      const reason = reasonOf(error);
      log.error(reason);
      show(status, "does not run", LanguageStatusSeverity.Error);
      sayDoesNotRun(program.command, reason);
    }
  }

  async function stop(): Promise<void> {
    const running = client;
    client = undefined;
    if (running?.needsStop()) await running.stop().catch((error: unknown) => log.warn(reasonOf(error)));
    await running?.dispose().catch((error: unknown) => log.warn(reasonOf(error)));
  }

  const next = (step: () => Promise<void>): Promise<void> => (last = last.then(step));
  return { restart: () => next(() => stop().then(start)), stop: () => next(stop) };
}

function makeClient(
  program: Program,
  folder: string | undefined,
  log: LogOutputChannel,
  run: Middleware["executeCommand"],
): LanguageClient {
  const options: LanguageClientOptions = {
    documentSelector: ROOMS,
    outputChannel: log,
    middleware: run === undefined ? {} : { executeCommand: run },
    errorHandler: { error: () => ({ action: ErrorAction.Continue, handled: true }), closed: givesUp() },
    initializationFailedHandler: () => false,
  };
  const started = {
    command: program.command,
    args: [...program.args, "serve"],
    options: folder === undefined ? {} : { cwd: folder },
  };
  return new LanguageClient("roomspec", "roomspec", started, options);
}

/** Starts an ended server again, until it has ended too often. */
function givesUp(): () => CloseHandlerResult {
  const ended: number[] = [];
  return () => {
    ended.push(Date.now());
    const within = ended.filter((time) => time > Date.now() - MINUTES * 60_000).length;
    if (within < ENDS) return { action: CloseAction.Restart, handled: true };
    sayKeepsEnding(within, MINUTES);
    return { action: CloseAction.DoNotRestart, handled: true };
  };
}

function statusItem(context: ExtensionContext): LanguageStatusItem {
  const status = languages.createLanguageStatusItem("roomspec", ROOMS);
  status.name = "roomspec";
  status.command = { title: "Start again", command: "roomspec.restart" };
  context.subscriptions.push(status);
  return status;
}

function show(status: LanguageStatusItem, text: string, severity: LanguageStatusSeverity, busy = false): void {
  status.text = text.startsWith("roomspec") ? text : `roomspec: ${text}`;
  status.severity = severity;
  status.busy = busy;
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  if (code === "ENOENT") return "there is no such program";
  if (code === "EACCES") return "it may not be run";
  const said = (error as { stderr?: unknown }).stderr;
  const text = typeof said === "string" && said.trim() !== "" ? said : error instanceof Error ? error.message : String(error);
  return text.trim().split("\n").at(-1) ?? text;
}
