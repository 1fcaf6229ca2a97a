import '@fontsource-variable/source-sans-3/wght.css';
import '@fontsource/source-serif-4/400.css';
import '@fontsource/source-serif-4/600.css';
import './style/tokens.css';
import './style/base.css';
import './style/field.css';
import './style/table.css';
import './style/shell.css';
import './style/jobs.css';
import './style/today.css';
import './style/sheet.css';
import './style/glance.css';
import './style/coat.css';
import './style/print.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { makeQueryClient } from './api/queries.ts';
import { resumeDrafts } from './draft/sessions.ts';
import { keepAppLater } from './keep-app.ts';
import { makeRouter } from './router.tsx';
import { ErrorBoundary } from './shell/ErrorBoundary.tsx';

resumeDrafts();
keepAppLater();
const queries = makeQueryClient();
const router = makeRouter(queries);

const place = document.getElementById('app');
if (place === null) throw new Error('index.html has no #app');
createRoot(place).render(
  <StrictMode>
    <ErrorBoundary>
      <QueryClientProvider client={queries}>
        <RouterProvider router={router} />
      </QueryClientProvider>
    </ErrorBoundary>
  </StrictMode>,
);
