import type { QueryClient } from '@tanstack/react-query';
import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router';
import { jobQuery, jobsQuery, shopQuery } from './api/queries.ts';
import { resinQuery, resinsQuery } from './api/resin-queries.ts';
import { NotFound } from './shell/NotFound.tsx';
import { PageError } from './shell/PageError.tsx';
import { Shell } from './shell/Shell.tsx';

/** Routes: / (Today), /jobs, /jobs/$jobId, /resins, /resins/$resinId, /shop, /run/$runId. Data is asked for early; the screens show it, and its errors, themselves. */
export function makeRouter(queries: QueryClient) {
  const root = createRootRoute({
    component: Shell,
    notFoundComponent: NotFound,
    loader: () => void queries.prefetchQuery(shopQuery),
  });
  const today = createRoute({
    getParentRoute: () => root,
    path: '/',
    loader: () => void queries.prefetchQuery(jobsQuery),
    component: lazyRouteComponent(() => import('./today/TodayPage.tsx'), 'TodayPage'),
  });
  const jobs = createRoute({
    getParentRoute: () => root,
    path: '/jobs',
    loader: () => void queries.prefetchQuery(jobsQuery),
    component: lazyRouteComponent(() => import('./jobs/JobsPage.tsx'), 'JobsPage'),
  });
  const job = createRoute({
    getParentRoute: () => root,
    path: '/jobs/$jobId',
    loader: ({ params }) => void queries.prefetchQuery(jobQuery(params.jobId)),
    component: lazyRouteComponent(() => import('./sheet/SheetPage.tsx'), 'SheetPage'),
  });
  const resins = createRoute({
    getParentRoute: () => root,
    path: '/resins',
    loader: () => void queries.prefetchQuery(resinsQuery),
    component: lazyRouteComponent(() => import('./resin/ResinsPage.tsx'), 'ResinsPage'),
  });
  const resin = createRoute({
    getParentRoute: () => root,
    path: '/resins/$resinId',
    loader: ({ params }) => void queries.prefetchQuery(resinQuery(params.resinId)),
    component: lazyRouteComponent(() => import('./resin/ResinPage.tsx'), 'ResinPage'),
  });
  const shop = createRoute({
    getParentRoute: () => root,
    path: '/shop',
    component: lazyRouteComponent(() => import('./shop/ShopPage.tsx'), 'ShopPage'),
  });
  const run = createRoute({
    getParentRoute: () => root,
    path: '/run/$runId',
    component: lazyRouteComponent(() => import('./run/RunPage.tsx'), 'RunPage'),
  });
  return createRouter({
    routeTree: root.addChildren([today, jobs, job, resins, resin, shop, run]),
    defaultErrorComponent: PageError,
    scrollRestoration: true,
    defaultPreload: 'intent',
  });
}

declare module '@tanstack/react-router' {
  interface Register {
    router: ReturnType<typeof makeRouter>;
  }
}
