import type { StepData } from '../../../core/contract/life.ts';
import { showEntered } from '../../../core/text/number.ts';
import type { EventDataByKind } from '../chain/events.ts';

/** "isolate: I-14", "test: passed, water, 10 bar for 10 min". */
export function stepSummary({ data, class: given }: EventDataByKind['joint stepped']): string {
  const told = [
    ...(given === null ? [] : [given.name]),
    ...detailsOf(data),
    ...(data.reallyDone === null ? [] : [`really done: ${data.reallyDone.reason}`]),
  ].filter((part) => part !== '');
  return told.length === 0 ? data.step : `${data.step}: ${told.join(', ')}`;
}

function detailsOf(data: StepData): string[] {
  switch (data.step) {
    case 'assess':
    case 'declare in service':
      return [data.evidence.basis];
    case 'schedule':
      return [data.evidence.workOrder, data.evidence.reason];
    case 'unschedule':
    case 'hold':
    case 'clear hold':
      return [data.evidence.reason];
    case 'isolate':
    case 'lift isolation':
      return [data.evidence.isolationRef];
    case 'release':
      return [data.evidence.permitRef, `${data.evidence.identityChecks.length} identity checks`];
    case 'break':
      return [data.evidence.permitRef];
    case 'inspect':
    case 'witness':
      return [data.evidence.result];
    case 'make up':
      return [`gasket ${data.evidence.gasket.condition}`, data.evidence.gasket.identity];
    case 'relaxation pass':
      return [data.evidence.kind ?? 'kind not known'];
    case 'test': {
      const { result, medium, pressure, hold } = data.evidence;
      const held = hold === null ? '' : ` for ${showEntered(hold)}`;
      return [result, medium, pressure === null ? '' : `${showEntered(pressure)}${held}`];
    }
    case 'reinstate': {
      const items = data.evidence.punchItems;
      return [items === null ? 'punch items not gone through' : `${items.length} punch items`];
    }
    case 'enter service':
      return [];
    case 'report leak': {
      const { clock, phase, rateWords } = data.evidence;
      return [phase, clock === null ? '' : `${clock} o’clock`, rateWords];
    }
    case 'close leak watch':
      return [data.evidence.done];
  }
}
