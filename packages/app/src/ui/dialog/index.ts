export { EraseDialog } from './erase-dialog.tsx';
export { Modal } from './modal.tsx';
