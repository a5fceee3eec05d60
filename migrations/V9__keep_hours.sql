-- Keeping promised hours. Portable: H2 and PostgreSQL run the same text.

-- A build that failed is tried again after a pause. A release can also be 'overtaken': a later one took its place
-- before it was built or shown.
alter table release add column tries integer default 0 not null;
alter table release add column try_again_at timestamp with time zone;

-- When the promise was made: an hour that had come already then means "as soon as possible". And the number of the
-- release that was made for it first: what was made for an earlier promise is none of this one's.
alter table episode add column promised_at timestamp with time zone;
alter table episode add column promised_release integer;

-- What an educator was told of an episode's hour, so that it is told once: the kind of trouble, and the hour, release or
-- draft that it was about.
create table hour_notice (
    episode_id varchar(16)  not null references episode (id) on delete cascade,
    kind       varchar(20)  not null,
    about      varchar(80)  not null,
    told_at    timestamp with time zone not null,
    primary key (episode_id, kind, about)
);

-- Remarks that an educator read and lets stand, by a digest of what was said and where.
create table accepted_remark (
    episode_id  varchar(16) not null references episode (id) on delete cascade,
    remark      varchar(64) not null,
    educator_id varchar(16) not null,
    accepted_at timestamp with time zone not null,
    primary key (episode_id, remark)
);
