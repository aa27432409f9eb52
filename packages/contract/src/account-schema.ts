import { z } from 'zod';
import { CALLERS, ROLES } from './permission.ts';

const roleSchema = z.enum(ROLES);
const nameSchema = z.string().trim().min(1).max(80).describe('Name, as people call it.');
/** Long enough that guessing is hopeless; no rule about signs, and no upper bound that a phrase would meet. */
const newPasswordSchema = z.string().min(12).max(256).describe('The password to be, of at least 12 signs.');

/** A shop of the company. */
export const shopSchema = z
  .object({
    id: z
      .string()
      .regex(/^[a-z0-9][a-z0-9-]{0,39}$/, 'small letters, digits and hyphens, 40 at most')
      .describe('What the shop is known by; it never changes.'),
    name: nameSchema,
  })
  .meta({ id: 'Shop' });
/** A new name of a shop. */
export const shopNameSchema = z.object({ name: nameSchema });
/** The shop that is to be looked at. */
export const shopChoiceSchema = z.object({ shop: z.string().max(40).describe('Identifier of the shop.') });

/** Who asks, and what they may do. */
export const sessionSchema = z
  .object({
    accounts: z
      .boolean()
      .describe('Whether people sign in here; else whoever reaches the program may do everything.'),
    provider: z
      .string()
      .nullable()
      .describe('Name of the provider that people may sign in by; null for none.'),
    signed_in: z
      .object({
        name: z.string().describe('Name of the account.'),
        role: z.enum(CALLERS).describe('What the person is in the shop that is looked at.'),
        shop: shopSchema.nullable().describe('The shop that is looked at; null for whoever belongs to none.'),
        shops: z.array(shopSchema).describe('The shops that may be looked at.'),
      })
      .nullable()
      .describe('Who is signed in; null for nobody.'),
  })
  .meta({ id: 'Session' });
export type Session = z.output<typeof sessionSchema>;

/** A name and its password. */
export const signInSchema = z.object({
  name: z.string().max(80).describe('Name of the account.'),
  password: z.string().max(256).describe('Its password.'),
});
/** The secret of a one-time link and the password that it sets. */
export const linkUseSchema = z.object({
  link: z.string().max(100).describe('What the path of the link ends in.'),
  password: newPasswordSchema,
});
/** The password as it is and as it shall be. */
export const passwordChangeSchema = z.object({
  password: z.string().max(256).describe('The password as it is.'),
  next: newPasswordSchema,
});

const rights = {
  administrator: z.boolean().describe('Whether the person looks after accounts and shops.'),
  shut: z.boolean().describe('Whether nobody may sign in by it.'),
  shops: z.record(z.string().max(40), roleSchema).describe('What the person is in which shop.'),
};

/** A person who may sign in. */
export const accountSchema = z
  .object({
    id: z.string().describe('Identifier of the account; it never changes.'),
    name: nameSchema,
    ...rights,
    opened: z.boolean().describe('Whether a password was ever set.'),
  })
  .meta({ id: 'Account' });
export type Account = z.output<typeof accountSchema>;
/** A person to be let in. */
export const newAccountSchema = z.object({
  name: nameSchema,
  administrator: rights.administrator.default(false),
  shops: rights.shops.default({}),
});
/** What an administrator sets of an account. */
export const accountRightsSchema = z.object(rights);
/** A link by which a person sets a password, once. */
export const accountLinkSchema = z
  .object({
    path: z.string().describe('Path of this server, to be handed to the person.'),
    ends_at: z.string().describe('When it is of no use any more (ISO 8601, UTC).'),
  })
  .meta({ id: 'AccountLink' });

/** A logger or gateway that brings readings into a shop. */
export const machineSchema = z
  .object({
    id: z.string().describe('Identifier of the machine; it never changes.'),
    shop: z.string().describe('Identifier of the shop that it brings readings into.'),
    name: nameSchema,
    made_at: z.string().describe('When it was let in (ISO 8601, UTC).'),
  })
  .meta({ id: 'Machine' });
export type Machine = z.output<typeof machineSchema>;
/** A machine to be let in. */
export const newMachineSchema = z.object({
  shop: z.string().max(40).describe('Identifier of the shop that it brings readings into.'),
  name: nameSchema,
});
/** The same with its token, which is shown this once. */
export const madeMachineSchema = machineSchema
  .extend({ token: z.string().describe('What it signs its requests with, shown this once.') })
  .meta({ id: 'MadeMachine' });

/** What an address names by its identifier. */
export const identifierSchema = z.object({ id: z.string().max(60).describe('Identifier of what is meant.') });
