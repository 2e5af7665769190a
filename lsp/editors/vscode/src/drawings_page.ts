// All drawings of a job under each other, on paper. Nothing in the page may run or be loaded.

/** As the server gives it. */
export interface Drawing {
  readonly name: string;
  readonly title: string;
  readonly svg: string;
}

const STYLE = `
  body { padding: 1rem; }
  figure { margin: 0 0 2rem; }
  figcaption { margin-bottom: .5rem; font-weight: 600; }
  img { display: block; max-width: 100%; background: white; }
`;

export function drawingsPage(drawings: readonly Drawing[]): string {
  const policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";
  const figures = drawings.length > 0 ? drawings.map(figure) : ["<p>Nothing to draw.</p>"];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>Drawings</title>
<style>${STYLE}</style>
</head>
<body>
${figures.join("\n")}
</body>
</html>`;
}

function figure({ title, svg }: Drawing): string {
  const image = `data:image/svg+xml;base64,${Buffer.from(svg, "utf-8").toString("base64")}`;
  return `<figure><figcaption>${escaped(title)}</figcaption><img alt="${escaped(title)}" src="${image}"></figure>`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}
