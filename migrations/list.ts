import type { Migration } from 'kysely/migration';
import { up as createRegister } from './20261125T1700_create_register.ts';
import { up as createPlant } from './20261125T1710_create_plant.ts';
import { up as createTools } from './20261125T1720_create_tools.ts';
import { up as createRecords } from './20261125T1730_create_records.ts';
import { up as createSiteTables } from './20261125T1815_create_site_tables.ts';
import { up as createToolRoom } from './20261125T2010_create_tool_room.ts';
import { up as createCases } from './20261125T2020_create_cases.ts';
import { up as createAccess } from './20261126T0300_create_access.ts';
import { up as nameSquareDriveHeads } from './20261126T0300_name_square_drive_heads.ts';
import { up as linkDecisions } from './20261126T0310_link_decisions_to_joints.ts';
import { up as createPasses } from './20261126T0320_create_passes.ts';
import { up as createJointIdentity } from './20261126T0340_create_joint_identity.ts';
import { up as createJointLife } from './20261126T0340_create_joint_life.ts';
import { up as createLeaks } from './20261126T0350_create_leaks.ts';
import { up as createSignatures } from './20261126T0730_create_signatures.ts';
import { up as createCampaigns } from './20261127T0740_create_campaigns.ts';

/** Every step in order. A step is frozen once it has landed; a name is never used again. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '20261125T1700_create_register': { up: createRegister },
  '20261125T1710_create_plant': { up: createPlant },
  '20261125T1720_create_tools': { up: createTools },
  '20261125T1730_create_records': { up: createRecords },
  '20261125T1815_create_site_tables': { up: createSiteTables },
  '20261125T2010_create_tool_room': { up: createToolRoom },
  '20261125T2020_create_cases': { up: createCases },
  '20261126T0300_create_access': { up: createAccess },
  '20261126T0300_name_square_drive_heads': { up: nameSquareDriveHeads },
  '20261126T0310_link_decisions_to_joints': { up: linkDecisions },
  '20261126T0320_create_passes': { up: createPasses },
  '20261126T0340_create_joint_identity': { up: createJointIdentity },
  '20261126T0340_create_joint_life': { up: createJointLife },
  '20261126T0350_create_leaks': { up: createLeaks },
  '20261126T0730_create_signatures': { up: createSignatures },
  '20261127T0740_create_campaigns': { up: createCampaigns },
};

/** Number of the schema the program writes: how many steps it knows. Stored as the file's user_version. */
export const SCHEMA_NUMBER = Object.keys(MIGRATIONS).length;
