import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { showMembers } from '#lib/usecases/people/manage-members.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../_auth/require-host.ts';
import { sayDay } from '../../_ui/say-times.ts';
import { ActionForm } from '../_parts/action-form.tsx';
import { DeskPage } from '../_parts/desk-page.tsx';
import { TextField } from '../_parts/field.tsx';
import { addHelperAction, removeHelperAction } from './actions.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost('manage-members')).locale, 'desk.nav-members') };
}

export default async function MembersPage(): Promise<ReactElement> {
  const host = await requireHost('manage-members');
  const { locale, zone } = host;
  const members = await showMembers(host.showId);
  return (
    <DeskPage host={host} place="members">
      <div className="stack">
        <h1>{say(locale, 'desk.nav-members')}</h1>
        <ul className="contents">
          {members.map((member) => (
            <li key={member.id}>
              <span>
                <strong>{member.signInName}</strong>{' '}
                <span className="quiet">
                  {say(locale, member.role === 'owner' ? 'desk.role-owner' : 'desk.role-helper')},{' '}
                  {say(locale, 'desk.since', { day: sayDay(member.createdAt, zone, locale) })}
                </span>
              </span>
              {member.role === 'helper' ? (
                <ActionForm
                  action={removeHelperAction}
                  submit={say(locale, 'desk.member-remove', { name: member.signInName })}
                  className="inline"
                  isPlain
                >
                  <input type="hidden" name="subject" value={member.id} />
                </ActionForm>
              ) : null}
            </li>
          ))}
        </ul>
        <h2>{say(locale, 'desk.member-add')}</h2>
        <p>{say(locale, 'desk.member-add-intro')}</p>
        <ActionForm action={addHelperAction} submit={say(locale, 'desk.member-add')}>
          <div className="side-by-side">
            <TextField
              name="name"
              label={say(locale, 'desk.sign-in-name')}
              required
              maxLength={40}
              autoComplete="off"
              autoCapitalize="none"
            />
            <TextField
              name="password"
              label={say(locale, 'desk.password-first')}
              hint={say(locale, 'desk.password-hint')}
              type="password"
              required
              minLength={12}
              maxLength={200}
              autoComplete="new-password"
            />
          </div>
        </ActionForm>
      </div>
    </DeskPage>
  );
}
