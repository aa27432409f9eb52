import type { VNode } from 'preact';

const SIGNED = ['Set up by', 'Checked by', 'Released for the first arc by'] as const;

/** What the page does not do, and the places where people sign on paper. */
export function SignOff(): VNode {
  return (
    <section class="panel sign-off" aria-labelledby="sign-title">
      <header class="panel-head">
        <h2 id="sign-title">Signatures</h2>
      </header>
      <p>
        This sheet releases no work and signs for nobody. Local codes, the permits of the site and those
        licensed to do and to release such work go first; where they say otherwise, they hold. The people
        below sign on paper.
      </p>
      <table class="sign-table">
        <thead>
          <tr>
            <th scope="col">Role</th>
            <th scope="col">Name</th>
            <th scope="col">Signature</th>
            <th scope="col">Date and time</th>
          </tr>
        </thead>
        <tbody>
          {SIGNED.map((role) => (
            <tr key={role}>
              <th scope="row">{role}</th>
              <td />
              <td />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
