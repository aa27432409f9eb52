export { Modal } from './modal.tsx';
