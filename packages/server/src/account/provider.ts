import { Refused } from '../guard/refused.ts';

/** A provider of OpenID Connect that people may sign in by. */
export interface ProviderPlace {
  /** Its address, by which everything else about it is discovered. */
  readonly issuer: URL;
  /** What it knows this program by, and the secret where there is one. */
  readonly clientId: string;
  readonly secret?: string;
  /** The claim that is the name of an account. An `email` counts only if the provider says that it is verified. */
  readonly claim: string;
  /** What people call it. */
  readonly name: string;
}

/** Whom a provider says it is. */
export interface Identity {
  readonly issuer: string;
  readonly subject: string;
  /** The name that the account would have; undefined where the provider does not vouch for one. */
  readonly name: string | undefined;
}

/** What is held by the browser on its way to the provider and back. */
interface Held {
  readonly state: string;
  readonly nonce: string;
  readonly verifier: string;
}

/** Where to send a browser, and what it is to hold meanwhile. */
export async function toProvider(
  place: ProviderPlace,
  returnTo: string,
): Promise<{ readonly url: URL; readonly held: string }> {
  const { client, config } = await discovered(place);
  const verifier = client.randomPKCECodeVerifier();
  const held: Held = { state: client.randomState(), nonce: client.randomNonce(), verifier };
  const url = client.buildAuthorizationUrl(config, {
    redirect_uri: returnTo,
    scope: 'openid email profile',
    code_challenge: await client.calculatePKCECodeChallenge(verifier),
    code_challenge_method: 'S256',
    state: held.state,
    nonce: held.nonce,
  });
  return { url, held: Buffer.from(JSON.stringify(held)).toString('base64url') };
}

/** Whom the provider says it is, from the address that it sent the browser back to; everything it sends is checked. */
export async function fromProvider(place: ProviderPlace, returned: URL, held: string): Promise<Identity> {
  const { state, nonce, verifier } = heldOf(held);
  const { client, config } = await discovered(place);
  const tokens = await client.authorizationCodeGrant(config, returned, {
    pkceCodeVerifier: verifier,
    expectedState: state,
    expectedNonce: nonce,
    idTokenExpected: true,
  });
  const claims = tokens.claims();
  if (claims === undefined) throw new Error('the provider sent no identity');
  const name = claims[place.claim];
  const isVouched =
    typeof name === 'string' && (place.claim !== 'email' || claims['email_verified'] === true);
  return { issuer: claims.iss, subject: claims.sub, name: isVouched ? name : undefined };
}

/**
 * What the provider says of itself and its keys, asked anew each time: keys that it changed hold at once. The library is
 * brought in when somebody signs in.
 */
async function discovered({ issuer, clientId, secret }: ProviderPlace) {
  const client = await import('openid-client');
  const config = await client.discovery(
    issuer,
    clientId,
    undefined,
    secret === undefined ? client.None() : client.ClientSecretBasic(secret),
    // allowed by the command line for a provider on this computer alone
    issuer.protocol === 'http:' ? { execute: [client.allowInsecureRequests] } : {},
  );
  // the signature of an identity is checked, though it came over an encrypted line from the provider itself
  client.enableNonRepudiationChecks(config);
  return { client, config };
}

function heldOf(text: string): Held {
  try {
    const held = JSON.parse(Buffer.from(text, 'base64url').toString('utf8')) as Held;
    if ([held.state, held.nonce, held.verifier].every((each) => typeof each === 'string')) return held;
  } catch {
    // told below
  }
  throw new Refused('SIGN_IN_REFUSED', 'Signing in was not begun in this browser. Begin again.');
}
