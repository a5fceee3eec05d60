-- Who keeps the site, who may begin series, whose desk is closed, who works on a series beside its owner, and invitations
-- to all of that. Portable: H2 and PostgreSQL run the same text.
alter table educator add column may_begin boolean default true not null;
alter table educator add column ended_at timestamp with time zone; -- what they wrote stays under their name
-- An address that was changed at the desk: nobody has proved to read what is sent there.
alter table educator add column email_typed boolean default false not null;

create table site_owner (
    only_row    integer     not null primary key check (only_row = 1),
    educator_id varchar(16) not null references educator (id)
);
insert into site_owner (only_row, educator_id)
select 1, id from educator order by created_at, id fetch first 1 rows only;

create table series_colleague (
    series_id   varchar(16) not null references series (id) on delete cascade,
    educator_id varchar(16) not null references educator (id),
    part        varchar(10) not null check (part in ('editor', 'figures')), -- the owner stands with the series
    since       timestamp with time zone not null,
    primary key (series_id, educator_id)
);
create index series_colleague_of_educator on series_colleague (educator_id);

create table invitation (
    id         varchar(16)  not null primary key,
    token_hash varchar(64)  not null unique,
    email      varchar(254) not null,
    offer      varchar(10)  not null,
    series_id  varchar(16)  references series (id) on delete cascade,
    educator_id varchar(16) references educator (id), -- who answers it at their desk; else whoever has the link does
    invited_by varchar(16)  not null references educator (id),
    created_at timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    check ((series_id is null and offer in ('desk', 'site'))
        or (series_id is not null and offer in ('owner', 'editor', 'figures')))
);
create index invitation_of_series on invitation (series_id);
create index invitation_of_email on invitation (email);
create index invitation_of_educator on invitation (educator_id);

-- A lesson has one draft, whoever writes in it; so far only the owner of its series could have one. The educator of a
-- draft is from now on who saved it last.
create unique index draft_of_episode on draft (episode_id);
