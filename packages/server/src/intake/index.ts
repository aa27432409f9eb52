/** The intake of readings, apart from the server so that gathering does not wait for what serving needs. */
export { httpSource } from './http-intake.ts';
export { Intake, type IntakeCount } from './intake.ts';
export { type ModbusPlace, modbusSource } from './modbus-source.ts';
export { type MqttPlace, mqttSource } from './mqtt-source.ts';
export type { Source } from './source.ts';
