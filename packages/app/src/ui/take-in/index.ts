export { ChooseFile } from './choose-file.tsx';
export { OpenFileButton } from './open-file-button.tsx';
