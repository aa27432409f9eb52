export { ACCENT, INK, MARK_STYLES, type MarkStyle, SOFT_INK } from './mark-style.ts';
