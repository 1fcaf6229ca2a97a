import { Link } from '@tanstack/react-router';
import { useSyncExternalStore } from 'react';
import { readStanding, type Standing, subscribeStanding } from '#web/draft/sessions.ts';

interface Said {
  readonly mark: string;
  readonly text: string;
  readonly tone: 'calm' | 'busy' | 'stop';
}

function say(standing: Standing): Said {
  if (!standing.kept)
    return { mark: '!', text: 'Not saved, and this device has no room to keep it', tone: 'stop' };
  switch (standing.state) {
    case 'saved':
      return { mark: '✓', text: 'Saved', tone: 'calm' };
    case 'waiting':
    case 'saving':
      return { mark: '…', text: 'Saving', tone: 'busy' };
    case 'offline':
      return { mark: '○', text: 'Not saved: offline, kept on this device', tone: 'stop' };
    case 'refused':
      return {
        mark: '!',
        text: `Not saved: ${standing.problems === 1 ? 'one field needs' : `${standing.problems} fields need`} attention`,
        tone: 'stop',
      };
    case 'conflict':
      return { mark: '!', text: 'Changed elsewhere: needs your choice', tone: 'stop' };
  }
}

/** Is what was typed safe? Said in words, with a mark, in one place on every screen. */
export function ConnectionState() {
  const standing = useSyncExternalStore(subscribeStanding, readStanding);
  const { mark, text, tone } = say(standing);
  return (
    <p className="connection" data-tone={tone} role="status">
      <span aria-hidden="true">{mark}</span>{' '}
      {tone === 'stop' && standing.place?.kind === 'job' ? (
        <Link to="/jobs/$jobId" params={{ jobId: standing.place.id }}>
          {text}
        </Link>
      ) : tone === 'stop' && standing.place?.kind === 'resin' ? (
        <Link to="/resins/$resinId" params={{ resinId: standing.place.id }}>
          {text}
        </Link>
      ) : (
        text
      )}
    </p>
  );
}
