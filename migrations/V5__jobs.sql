-- The job scheduler's own table (its columns are the library's); bytea is known to H2 as well.
create table scheduled_tasks (
    task_name            varchar(250) not null,
    task_instance        varchar(250) not null,
    task_data            bytea,
    execution_time       timestamp(6) with time zone not null,
    picked               boolean not null,
    picked_by            varchar(50),
    last_success         timestamp(6) with time zone,
    last_failure         timestamp(6) with time zone,
    consecutive_failures integer,
    last_heartbeat       timestamp(6) with time zone,
    version              bigint not null,
    priority             smallint,
    state                varchar(50),
    primary key (task_name, task_instance)
);

create index scheduled_tasks_due on scheduled_tasks (execution_time);
create index scheduled_tasks_heartbeat on scheduled_tasks (last_heartbeat);
