export { FormView } from './form-view.tsx';
