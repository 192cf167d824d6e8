import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';

/** What the page rests on, so that a print of it can be held against the register later. */
export function RecordFoot({ tool }: { readonly tool: ToolRecord }) {
  const register = useRegister();
  return (
    <footer className="foot small">
      <p>
        {register.siteName}: {tool.data.number}, version {tool.version}, as read{' '}
        {moment(tool.readAt, register.timeZone)}. Program {register.appVersion}, calculations{' '}
        {register.coreVersion}.
      </p>
      <p className="seal">Head of the register: {tool.head ?? 'nothing recorded yet'}</p>
      <p>
        From what was entered. The site procedure, the tool’s own instructions and the competent person come
        first.
      </p>
    </footer>
  );
}
