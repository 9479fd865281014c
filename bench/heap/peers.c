/* Integrates the members of a file, one after the other, with a solver of SUNDIALS; writes the temperature of the core
 * [member][look] and prints: solver, weights, tolerance, members, processor seconds, steps and evaluations a member.
 *   peers check FILE                                      compare the rates with those in the file
 *   peers SOLVER WEIGHTS TOLERANCE FILE MEMBERS OUTPUT
 * SOLVER  dense band gmres fixed (CVODE, BDF), adams (CVODE, Adams with fixed point), erk (ARKODE, Bogacki-Shampine 3)
 * WEIGHTS ours (temperature and oxygen as in our own control) or all (the other states too, relative) */
#include "heap.h"

#include <arkode/arkode_erkstep.h>
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_version.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

struct task { struct heap *heap; double tolerance; int all; double scale[MOST_ZONES * PER_ZONE]; };

static int rates(realtype t, N_Vector y, N_Vector d, void *user)
{
    heap_rates(((struct task *)user)->heap, t, N_VGetArrayPointer(y), N_VGetArrayPointer(d));
    return 0;
}

/* Temperature within the tolerance (K), oxygen as our own control takes it; the norm is the root of the mean square
 * over states, so it is brought to that over the weighted ones. */
static int weights(N_Vector y, N_Vector w, void *user)
{
    struct task *task = user;
    const struct heap *h = task->heap;
    const double *q = N_VGetArrayPointer(y);
    double *out = N_VGetArrayPointer(w);
    double mean = sqrt(task->all ? 1.0 : PER_ZONE / 2.0);
    for (int z = 0; z < h->zones; z++) {
        for (int s = 0; s < PER_ZONE; s++) {
            int i = z * PER_ZONE + s;
            /* Relative error of the rest: a kelvin is to sixty as this is to one. */
            out[i] = task->all ? 1 / (task->tolerance / 60 * (fabs(q[i]) + 1e-3 * task->scale[i]))
                               : 1e-9 / (task->scale[i] + 1e-12);
        }
        out[z * PER_ZONE + HEAT] = mean / (task->tolerance * heap_capacity(h, q, z));
        out[z * PER_ZONE + OXYGEN] = mean / (task->tolerance * (0.004 / 0.03));
    }
    return 0;
}

static void must(int flag, const char *what)
{
    if (flag < 0) {
        fprintf(stderr, "%s: %d\n", what, flag);
        exit(1);
    }
}

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static int check(struct heap_file *file)
{
    int n = file->zones * PER_ZONE, each = 1 + 2 * n;
    double worst = 0, *rate = malloc(sizeof(double) * (size_t)n);
    for (int m = 0; m < file->members; m++)
        for (int c = 0; c < file->checks; c++) {
            const double *at = file->check + (m * file->checks + c) * each;
            heap_rates(file->heap + m, at[0], at + 1, rate);
            for (int i = 0; i < n; i++) {
                double size = 0; /* the largest rate of that state over zones */
                for (int z = 0; z < file->zones; z++)
                    size = fmax(size, fabs(at[1 + n + z * PER_ZONE + i % PER_ZONE]));
                worst = fmax(worst, fabs(rate[i] - at[1 + n + i]) / fmax(size, 1e-300));
            }
        }
    free(rate);
    printf("rates differ by at most %.2g of the largest of their kind, over %d members at %d times\n", worst,
        file->members, file->checks);
    return worst <= 1e-8 ? 0 : 1;
}

int main(int count, char **argument)
{
    struct heap_file file;
    if (count == 2 && strcmp(argument[1], "version") == 0) {
        printf("SUNDIALS %s\n", SUNDIALS_VERSION);
        return 0;
    }
    if (count == 3 && strcmp(argument[1], "check") == 0 && heap_read(argument[2], &file))
        return check(&file);
    if (count != 7 || !heap_read(argument[4], &file)) {
        fprintf(stderr, "usage: see peers.c\n");
        return 2;
    }
    const char *solver = argument[1];
    int erk = strcmp(solver, "erk") == 0, adams = strcmp(solver, "adams") == 0;
    int members = atoi(argument[5]), n = file.zones * PER_ZONE;
    int looks = (int)lround(file.days / file.look_every) + 1;
    double *core = malloc(sizeof(double) * (size_t)(members * looks));
    long steps = 0, evaluations = 0;
    SUNContext context;
    must(SUNContext_Create(NULL, &context), "context");
    double begin = seconds();
    for (int m = 0; m < members; m++) {
        struct task task = { file.heap + m, atof(argument[3]), strcmp(argument[2], "all") == 0, { 0 } };
        N_Vector y = N_VNew_Serial(n, context);
        memcpy(N_VGetArrayPointer(y), file.start + m * n, sizeof(double) * (size_t)n);
        for (int i = 0; i < n; i++)
            task.scale[i] = fabs(file.start[m * n + i]);
        core[m * looks] = heap_core(task.heap, N_VGetArrayPointer(y));
        SUNMatrix matrix = NULL;
        SUNLinearSolver linear = NULL;
        SUNNonlinearSolver fixed = NULL;
        void *memory;
        if (erk) {
            memory = ERKStepCreate(rates, 0, y, context);
            must(ERKStepSetUserData(memory, &task), "data");
            must(ERKStepWFtolerances(memory, weights), "weights");
            must(ERKStepSetTableNum(memory, ARKODE_BOGACKI_SHAMPINE_4_2_3), "method");
            must(ERKStepSetMaxNumSteps(memory, -1), "steps");
            must(ERKStepSetMaxStep(memory, 0.25), "longest");
        } else {
            memory = CVodeCreate(adams ? CV_ADAMS : CV_BDF, context);
            must(CVodeInit(memory, rates, 0, y), "start");
            must(CVodeSetUserData(memory, &task), "data");
            must(CVodeWFtolerances(memory, weights), "weights");
            must(CVodeSetMaxNumSteps(memory, -1), "steps");
            must(CVodeSetMaxStep(memory, 0.25), "longest");
            if (adams || strcmp(solver, "fixed") == 0) {
                fixed = SUNNonlinSol_FixedPoint(y, 0, context);
                must(CVodeSetNonlinearSolver(memory, fixed), "fixed point");
            } else if (strcmp(solver, "gmres") == 0) {
                linear = SUNLinSol_SPGMR(y, SUN_PREC_NONE, 10, context);
                must(CVodeSetLinearSolver(memory, linear, NULL), "gmres");
            } else if (strcmp(solver, "band") == 0) {
                /* Neighbours only; that air pressure couples all zones is left to the iteration. */
                int reach = (file.heap[0].rings + 1) * PER_ZONE - 1;
                reach = reach < n - 1 ? reach : n - 1;
                matrix = SUNBandMatrix(n, reach, reach, context);
                linear = SUNLinSol_Band(y, matrix, context);
                must(CVodeSetLinearSolver(memory, linear, matrix), "band");
            } else {
                matrix = SUNDenseMatrix(n, n, context);
                linear = SUNLinSol_Dense(y, matrix, context);
                must(CVodeSetLinearSolver(memory, linear, matrix), "dense");
            }
        }
        long before = task.heap->evaluations;
        for (int look = 1; look < looks; look++) {
            double t;
            must(erk ? ERKStepEvolve(memory, look * file.look_every, y, &t, ARK_NORMAL)
                     : CVode(memory, look * file.look_every, y, &t, CV_NORMAL), "integration");
            core[m * looks + look] = heap_core(task.heap, N_VGetArrayPointer(y));
        }
        long taken;
        if (erk)
            ERKStepGetNumSteps(memory, &taken);
        else
            CVodeGetNumSteps(memory, &taken);
        steps += taken;
        evaluations += task.heap->evaluations - before;
        if (erk)
            ERKStepFree(&memory);
        else
            CVodeFree(&memory);
        if (linear)
            SUNLinSolFree(linear);
        if (matrix)
            SUNMatDestroy(matrix);
        if (fixed)
            SUNNonlinSolFree(fixed);
        N_VDestroy(y);
    }
    double spent = seconds() - begin;
    FILE *out = fopen(argument[6], "wb");
    fwrite(core, sizeof(double), (size_t)(members * looks), out);
    fclose(out);
    printf("%s-%s %s %d %.6f %ld %ld\n", solver, argument[2], argument[3], members, spent, steps / members,
        evaluations / members);
    SUNContext_Free(&context);
    return 0;
}
