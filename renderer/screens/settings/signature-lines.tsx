import type { IssuedSetting } from '../../../core/contract/setting.ts';

/** Only on paper: who answers for the sheet. The second person looks at gauge or tool before the first nut. */
export function SignatureLines({ issued }: { readonly issued: IssuedSetting }) {
  return (
    <table className="only-print signatures">
      <caption>Signatures for setting {issued.number}; they give no permit to work.</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Name</th>
          <th scope="col">Date</th>
          <th scope="col">Signature</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Issued by</th>
          <td>{issued.issuedBy}</td>
          <td />
          <td />
        </tr>
        <tr>
          <th scope="row">Checked by (second person)</th>
          <td />
          <td />
          <td />
        </tr>
      </tbody>
    </table>
  );
}
