export { type FaultyWire, faultyWire } from './faulty-wire.ts';
export { findPostgres, type PostgresServer, startPostgres } from './postgres-server.ts';
