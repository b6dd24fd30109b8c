-- The same as sqlite/1.sql: names, meanings and units are told there.
create table casualty(
  id text primary key,
  opened bigint not null
);

create table root(
  kind text not null check (kind in ('line', 'identity')),
  value text not null,
  casualty text not null references casualty(id),
  primary key (kind, value)
);
create index root_casualty on root(casualty);

create table line(
  casualty text not null references casualty(id),
  position bigint not null,
  device text not null,
  number bigint not null,
  hash bytea not null,
  bytes bytea not null,
  arrived bigint not null,
  via text not null,
  primary key (casualty, position),
  unique (casualty, device, number, hash)
);
