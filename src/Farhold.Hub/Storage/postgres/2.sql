-- The same as sqlite/2.sql: names, meanings and units are told there.
create table device(
  thumb text primary key,
  key bytea not null,
  device text not null unique,
  name text not null,
  role text not null check (role in ('carer', 'coordinator', 'adviser', 'instructor', 'owner')),
  team text not null,
  enrolled bigint not null,
  confirmed bigint,
  revoked bigint
);

create table invitation(
  hash bytea primary key,
  role text not null,
  team text not null,
  name text not null,
  made bigint not null,
  made_by text not null,
  until bigint not null,
  beforehand bigint not null,
  used bigint,
  withdrawn bigint
);

create table belongs(
  casualty text primary key references casualty(id),
  team text not null
);

create table allowed(
  casualty text not null references casualty(id),
  thumb text not null,
  since bigint not null,
  by text not null,
  primary key (casualty, thumb)
);

create table share(
  id text primary key,
  casualty text not null references casualty(id),
  secret bytea not null,
  code bytea,
  wrong bigint not null,
  made bigint not null,
  made_by text not null,
  until bigint not null,
  ended bigint,
  opened bigint not null,
  last_opened bigint
);

create table said(
  casualty text not null references casualty(id),
  thumb text not null,
  head bytea not null,
  at bigint not null,
  primary key (casualty, thumb)
);

create table heard(
  casualty text not null references casualty(id),
  thumb text not null,
  at bigint not null,
  primary key (casualty, thumb)
);

create table seal(
  casualty text not null references casualty(id),
  thumb text not null,
  device text not null,
  number bigint not null,
  head bytea not null,
  base text not null,
  signature bytea not null,
  at bigint not null,
  primary key (casualty, thumb)
);

create table audit(
  position bigint primary key,
  at bigint not null,
  who text not null,
  what text not null,
  about text not null,
  hash bytea not null
);
