export { OpenFileButton } from './open-file-button.tsx';
