export { limitSchema } from '@furrow/engine';
