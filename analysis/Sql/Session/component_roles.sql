-- One row per component: main, or accessory that is fitted along with another.
create or replace table component_roles (
    component varchar not null,
    role      varchar not null
);
