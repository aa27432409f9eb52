import { connect as connectSocket, type Socket } from 'node:net';
import { connect as connectSecure } from 'node:tls';
import { FRAME_BYTES_MOST } from './frame.ts';
import type { Intake } from './intake.ts';
import { PacketBound } from './packet-bound.ts';
import type { Source } from './source.ts';

/** How a broker is asked for the readings of one rig. */
export interface MqttPlace {
  /** Such as mqtt://broker:1883 or mqtts://broker:8883, with user and password where there are. */
  readonly url: string;
  /** The topic of the rig, without wildcards: readings of other rigs are refused. */
  readonly topic: string;
  /** The same at each start, so that the broker keeps what comes while nobody listens. */
  readonly clientId: string;
}

/** What a packet holds beside its frame [bytes]. */
const PACKET_MORE = 4096;

/**
 * Takes readings of one topic from an MQTT broker at QoS 1 in a lasting session. A message is acknowledged to the broker
 * when it is on disk; one that could not be kept is not, and the broker sends it again.
 */
export async function mqttSource(
  intake: Intake,
  { url, topic, clientId }: MqttPlace,
  tell: (what: string) => void,
): Promise<Source> {
  // loaded where it is used: it takes a second
  const { MqttClient } = await import('mqtt');
  const { hostname, port, protocol, username, password } = new URL(url);
  const secure = protocol === 'mqtts:';
  const open = (): Socket => {
    const place = { host: hostname, port: Number(port || (secure ? 8883 : 1883)) };
    const socket = secure ? connectSecure({ ...place, servername: hostname }) : connectSocket(place);
    const bound = new PacketBound(FRAME_BYTES_MOST + PACKET_MORE);
    socket.on('data', (piece) => {
      if (bound.holds(piece)) return;
      const why = `The broker sends a packet longer than ${FRAME_BYTES_MOST / 1024} KiB.`;
      tell(why);
      intake.refuse(why);
      socket.destroy();
    });
    return socket;
  };
  const client = new MqttClient(open, {
    clientId,
    clean: false,
    protocolVersion: 4,
    reconnectPeriod: 1000,
    connectTimeout: 10_000,
    ...(username === '' ? {} : { username: decodeURIComponent(username) }),
    ...(password === '' ? {} : { password: decodeURIComponent(password) }),
  });
  // the acknowledgement is sent when the callback is called
  client.handleMessage = ({ topic: from, payload }, acknowledge) => {
    if (from !== topic) {
      intake.refuse(`a reading of another topic, "${String(from).slice(0, 60)}"`);
      acknowledge();
      return;
    }
    intake.take(Buffer.from(payload)).then(
      () => acknowledge(),
      (error: unknown) => {
        const failure = error instanceof Error ? error : new Error('not kept');
        tell(failure.message);
        acknowledge(failure);
        // not acknowledged: the broker sends it again after the next connection
        client.reconnect();
      },
    );
  };
  client.on('connect', () => {
    tell(`connected to ${hostname}`);
    client.subscribe(topic, { qos: 1 }, (error) => {
      if (error) tell(`The broker refuses the topic ${topic}: ${error.message}`);
    });
  });
  client.on('error', (error) => tell(error.message));
  client.on('offline', () => tell(`no connection to ${hostname}; trying again`));
  return { address: `${url.replace(/\/\/[^@/]*@/u, '//')} ${topic}`, close: () => client.endAsync(true) };
}
