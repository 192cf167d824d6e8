import { referenceChoices } from '../../../core/reference/choices.ts';
import type { Read } from './handler.ts';

export const choices: Read<'reference.choices'> = async () => referenceChoices();
