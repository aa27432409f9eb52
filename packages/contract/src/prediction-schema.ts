export { bandSchema, spreadSchema } from '@furrow/engine';
