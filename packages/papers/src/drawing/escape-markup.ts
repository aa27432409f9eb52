const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

// control characters that HTML and XML do not allow, and halves of surrogate pairs
const FORBIDDEN = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu;

/** Makes text safe inside an element or a quoted attribute of HTML and SVG. */
export function escapeMarkup(text: string): string {
  return text.replace(FORBIDDEN, '�').replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign);
}
