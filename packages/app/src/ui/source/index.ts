export { SourceText } from './source-text.tsx';
