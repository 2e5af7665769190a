// A wall's drawing is a whole sheet: made to fit the box that tells of the wall.
import { MarkdownString } from "vscode";
import type { Middleware } from "vscode-languageclient/node";

const WIDTH = 480;

export const provideHover: NonNullable<Middleware["provideHover"]> = async (document, position, token, next) => {
  const hover = await next(document, position, token);
  for (const part of hover?.contents ?? []) {
    if (part instanceof MarkdownString) part.value = part.value.replace(/(\]\(data:image\/[^)|]+)\)/g, `$1|width=${WIDTH})`);
  }
  return hover;
};
