// The program is solved in its dual form: three rows (s, x, y) and a column per limit, so that a
// basis is never larger than 3 × 3 however many limits there are. The scale and the move are then
// the prices of the rows. Least Σ limit·y with Σ s·y ≥ 1, Σ x·y = 0, Σ y·y = 0, y ≥ 0; it has no
// lower end just when no scale keeps the limits. A further limit is a further column, so the basis
// found before stays a basis, and the simplex method goes on from it. Duality: any book on linear
// programming.
#include "geometry/fit_program.h"

#include <glpk.h>

#include <array>

namespace tw {

namespace {

constexpr double kExact = 1e-10;  // of the optimum; the questions are asked in units near 1

glp_smcp howToSolve() {
  glp_smcp how;
  glp_init_smcp(&how);
  how.msg_lev = GLP_MSG_OFF;
  how.tol_bnd = how.tol_dj = kExact;
  how.pricing = GLP_PT_STD;  // three rows: steepest edges do not pay
  return how;
}

}  // namespace

struct FitProgram::Solver {
  std::unique_ptr<glp_prob, decltype(&glp_delete_prob)> problem{glp_create_prob(), glp_delete_prob};
  glp_smcp how = howToSolve();

  void set(int column, const FitLimit& l) const {
    constexpr std::array<int, 4> kRows{0, 1, 2, 3};
    const std::array<double, 4> cells{0, l.s, l.x, l.y};
    glp_set_col_bnds(problem.get(), column, l.equal ? GLP_FR : GLP_LO, 0, 0);
    glp_set_obj_coef(problem.get(), column, l.limit);
    glp_set_mat_col(problem.get(), column, 3, kRows.data(), cells.data());
  }
};

FitProgram::FitProgram(const std::vector<FitLimit>& limits) : solver_(std::make_unique<Solver>()) {
  glp_prob* p = solver_->problem.get();
  glp_set_obj_dir(p, GLP_MIN);
  glp_add_rows(p, 3);
  glp_set_row_bnds(p, 1, GLP_LO, 1, 0);
  glp_set_row_bnds(p, 2, GLP_FX, 0, 0);
  glp_set_row_bnds(p, 3, GLP_FX, 0, 0);
  glp_add_cols(p, static_cast<int>(limits.size()));
  int column = 0;
  for (const FitLimit& limit : limits) solver_->set(++column, limit);
}

FitProgram::~FitProgram() = default;

void FitProgram::add(const FitLimit& limit) {
  solver_->set(glp_add_cols(solver_->problem.get(), 1), limit);
}

void FitProgram::replaceLast(const FitLimit& limit) {
  glp_prob* p = solver_->problem.get();
  const int last = glp_get_num_cols(p);
  // A basis that holds the old column is none of the new program.
  if (glp_get_col_stat(p, last) == GLP_BS) glp_std_basis(p);
  solver_->set(last, limit);
}

std::optional<ScaleAndMove> FitProgram::largest() {
  glp_prob* p = solver_->problem.get();
  if (glp_simplex(p, &solver_->how) != 0) {
    glp_std_basis(p);
    if (glp_simplex(p, &solver_->how) != 0) return {};
  }
  if (glp_get_status(p) != GLP_OPT) return {};
  return ScaleAndMove{glp_get_row_dual(p, 1), glp_get_row_dual(p, 2), glp_get_row_dual(p, 3)};
}

std::optional<ScaleAndMove> largestScale(const std::vector<FitLimit>& limits) {
  return FitProgram(limits).largest();
}

}  // namespace tw
