// What a link shows that opens nothing. A route handler cannot draw the app's own pages, so this one is whole in itself.

const WORDS: Readonly<Record<404 | 429 | 503, { readonly title: string; readonly text: string }>> = {
  404: {
    title: 'This link opens nothing',
    text: 'It may have lost a part on its way. Open it once more from the mail, or copy all of it. Ask the shop that sent it for a new one if that does not help.',
  },
  429: {
    title: 'Too many links that open nothing',
    text: 'Wait ten minutes and open the link from the mail once more, or ask the shop that sent it.',
  },
  503: {
    title: 'The shop’s server is resting',
    text: 'Nothing was lost. Open the link again in a minute.',
  },
};

export function refusalPage(status: 404 | 429 | 503): string {
  const { title, text } = WORDS[status];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
</head>
<body style="margin:0;font:1rem/1.5 system-ui,sans-serif">
<main style="max-width:34rem;margin:12vh auto;padding:0 1.25rem">
<h1 style="font-size:1.5rem;line-height:1.2">${title}</h1>
<p>${text}</p>
</main>
</body>
</html>
`;
}
