// Whole blocks and lines, offered where a line begins. Contributed as snippets they would be offered anywhere, and Enter after
// the unit in `2.4 m` would put a method there.
import { CompletionItem, CompletionItemKind, SnippetString } from "vscode";
import type { CompletionItemProvider } from "vscode";
import snippets from "../snippets.json";

export const snippetsAtLineStart: CompletionItemProvider = {
  provideCompletionItems(document, position) {
    const before = document.lineAt(position.line).text.slice(0, position.character);
    return /^\s*[\p{L}-]*$/u.test(before) ? offered() : [];
  },
};

function offered(): CompletionItem[] {
  return Object.values(snippets).map(({ prefix, description, body }) => {
    const item = new CompletionItem({ label: `${prefix} ...`, description }, CompletionItemKind.Snippet);
    item.insertText = new SnippetString(typeof body === "string" ? body : body.join("\n"));
    item.filterText = prefix;
    item.sortText = `9${prefix}`;
    return item;
  });
}
