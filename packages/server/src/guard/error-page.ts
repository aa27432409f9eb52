import type { ErrorBody } from '@furrow/contract';

/** The page shown where somebody looks for a page and there is an error instead. */
export function errorPage({ code, message, issues = [] }: ErrorBody): string {
  const list = issues.map((issue) => `<li>${escaped(issue.message)}</li>`).join('');
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Furrow: ${escaped(code)}</title></head>
<body>
<h1>This page cannot be shown</h1>
<p>${escaped(message)}</p>
${list === '' ? '' : `<ul>${list}</ul>`}
<p><a href="/">Back to the bench</a></p>
</body>
</html>
`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
